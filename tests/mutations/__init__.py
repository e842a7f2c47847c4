"""Small changes of the code, each held against the tests: which of them does no test notice?"""
