"""What did we do? The figures of a day and of a month: pure, in whole cents, knives and seconds."""
