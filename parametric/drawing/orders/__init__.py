"""What is sent to suppliers: glass, timber, hardware, each a sheet that can be posted as it is."""
