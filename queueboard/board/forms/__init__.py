"""What forms are made of: fields, choices, the customer picker, typed lines of knives."""
