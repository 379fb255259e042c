"""Builds in progress: the journal and rescue."""
