"""What can be bought: materials, bearings, fasteners, sheets, each row with its source."""
