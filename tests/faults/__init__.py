"""Faults of the machine: runs killed at any moment, disks that refuse, records that change, a cache that is damaged."""
