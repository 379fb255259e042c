"""One file a page: the record it shows and how it is filled. The addresses stand in ``web/ways.py``."""
