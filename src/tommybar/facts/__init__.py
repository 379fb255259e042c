"""Outside figures: data files that name their source, and small readers."""
