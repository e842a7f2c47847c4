"""One horse's sheet for the vet in a sealed file of its own."""
