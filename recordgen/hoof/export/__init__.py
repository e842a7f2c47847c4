"""A horse's summary as plain values: the vet's sheet as rows, CSV and JSON."""
