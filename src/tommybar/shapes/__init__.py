"""Features as geometry: half-sections, holes, volume, mass and inertia."""
