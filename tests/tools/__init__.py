"""Scripts that generate committed files; tests run them again and fail on a difference."""
