"""What is typed, taken up: the complaint meant, the test asked for, what a number comes to."""
