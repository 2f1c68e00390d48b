"""Values into the trade's sentences, for screens, papers and command line alike."""
