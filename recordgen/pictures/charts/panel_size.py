"""The size of the panels through time and the place of their axes, in picture units; known without drawing."""

# Four stand abreast at 1280 CSS px and two on a phone: then a unit is about a pixel, and words are 11 to 16 px.
WIDTH, HEIGHT = 170.0, 118.0
LEFT, RIGHT, TOP, BOTTOM = 29.0, 154.0, 18.0, 97.0
# So much less high are low ones.
LOWER = 22.0
