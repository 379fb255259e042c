"""Whether a part can be made from its sheet: the part is built again from the printed figures alone and compared."""
