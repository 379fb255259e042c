"""Builds: begun, listed, looked at; the door to the page At the machine."""
