"""Printed tables of the standards, each as a file of data with one small reader."""
