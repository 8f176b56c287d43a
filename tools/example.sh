# The example that tools/demo runs and README.md shows; sourced by bash, run in the root of the project.
example_arguments=(assess examples/old-sash.toml)
vent_arguments=(vent examples/decisions/breaks-help.toml)
section_arguments=(section examples/section/sash-with-sheet.toml)
