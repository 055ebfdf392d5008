## El manual del método, en la terminal y en la aplicación
help-explain-page = Imprimir una página del manual del método, o buscar páginas por palabras
help-explain-words = El nombre de una página, como “verdict”, o palabras que se buscan (en inglés); sin nada se listan todas las páginas
handbook-not-found = Ninguna página del manual tiene “{ $words }”. “tautline explain” lista todas las páginas.
handbook-how = “tautline explain NOMBRE” imprime una página.
handbook-english = Por ahora el manual está escrito solo en inglés.
