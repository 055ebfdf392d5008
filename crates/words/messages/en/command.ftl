### Words of tautline: command.
