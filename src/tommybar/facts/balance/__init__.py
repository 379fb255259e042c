"""Balance quality grades of ISO 21940-11."""
