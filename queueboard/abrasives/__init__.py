"""With what: the sizes behind grit labels, and the order of belts."""
