"""The assembly drawing: everything pulled apart, numbered, listed, and in which order it goes together."""
