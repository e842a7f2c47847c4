"""Records changed at random, a file at a time: the answer is always problems with their places, and it always comes."""
