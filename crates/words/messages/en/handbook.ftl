## The method handbook, on a terminal and in the app
help-explain-page = Print a page of the method handbook, or find pages by words
help-explain-words = A page's name, such as “verdict”, or words to look for; nothing lists all pages
handbook-not-found = No page of the handbook has “{ $words }”. “tautline explain” lists all pages.
handbook-how = “tautline explain NAME” prints a page.
handbook-english = The handbook is written in English so far.
