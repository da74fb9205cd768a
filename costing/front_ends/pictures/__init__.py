"""Pictures for a letter or a slide, as PNG or SVG files: readable in print without colour."""
