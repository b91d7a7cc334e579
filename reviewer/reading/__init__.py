"""From text to a design: strict YAML, fields, and every problem with its place."""
