"""Names, codes, partial dates and sentences: pure rules that know no database and no page."""
