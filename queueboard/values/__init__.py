"""What things are: frozen values without rules of their own."""
