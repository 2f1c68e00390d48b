"""What is printed, as plain text and as plain data: day sheet, lists, one box, stub and tags, close-out summary."""
