"""The error of a traced figure: of the hand that marked it, of the camera, and what a picture traced twice tells."""
