-- People's word on the lines of payers' lists, too, is in the change log.
SELECT watch_changes('remittance_lines');
