### Words of tautline: exchange.
