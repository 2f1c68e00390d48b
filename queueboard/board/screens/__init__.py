"""The screens: each shows one part of the picture and hands over what the person wants."""
