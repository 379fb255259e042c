"""What is said before every start at the mill."""

START = (
    "Vice or clamps tight, key out, quill lock as needed; never hold the work by hand.",
    "Eye protection; spindle stopped for every measurement and every change of tool.",
)
