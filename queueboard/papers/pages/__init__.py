"""Papers as pages of HTML made for print: one base with one style, a template for each paper, words from phrases/."""
