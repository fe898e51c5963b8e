"""An invented fern society, as the spreadsheets a society would really have.

``python -m demo_data.compose`` writes the spreadsheets next to this file; the same bytes every time.
Nobody and nothing in them is real but the botanical names.
"""
