"""Formulas, pure: cutting, holding, deflection, rotors, joints, structure, springs."""
