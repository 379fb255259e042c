"""What is done at the mill: holes, seats, flats, slots, pockets, steps, vees, and how the work stands there."""
