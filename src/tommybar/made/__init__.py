"""What has really been made: measured sizes, steps done, and new limits of mates."""
