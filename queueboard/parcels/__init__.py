"""What goes back: cut-offs, return labels and the close-out of a box."""
