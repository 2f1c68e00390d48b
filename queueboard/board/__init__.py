"""What a person sees: the app, its screens and widgets."""
