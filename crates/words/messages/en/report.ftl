### Words of tautline: report.
