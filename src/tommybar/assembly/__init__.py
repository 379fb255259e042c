"""Parts put together: where each piece stands, what meets what, what sweeps past what, in which order."""
