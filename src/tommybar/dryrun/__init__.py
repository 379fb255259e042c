"""The route cut on geometry."""
