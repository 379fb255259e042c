"""Settings for every test: properties are judged by what they find, never by the clock."""

from hypothesis import settings

settings.register_profile("house", deadline=None)
settings.load_profile("house")
