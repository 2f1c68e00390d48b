"""An invented sharpening shop through a year of drawn days: what the planner's figures are worth. No shop's data."""
