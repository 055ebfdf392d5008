//! Arithmetic as it stands on a page: `what: 3 + 4 = 7`. A calculator of its own, so that the engine isn't checked by itself.

/// Works out the part before the last `=` and holds it against what is printed behind it, to the digits printed.
pub(crate) fn check(row: &str) -> Result<(), String> {
    let (_, sum) = row.split_once(": ").ok_or("it has no name")?;
    let (left, printed) = sum.rsplit_once('=').ok_or("it has no answer")?;
    let worked = value(left)?;
    let printed = printed.trim().replace('−', "-");
    let (digits, unit) = printed.split_once(' ').unwrap_or((&printed, ""));
    let factor = if unit == "%" { 100.0 } else { 1.0 };
    let wanted: f64 = digits.parse().map_err(|_| format!("“{digits}” is no number"))?;
    let places = digits.split_once('.').map_or(0, |(_, decimals)| decimals.len());
    let half = 0.5 * 10_f64.powi(-i32::try_from(places).map_err(|why| why.to_string())?);
    // a half may fall either way, since doubles hold few decimals exactly
    if (worked * factor - wanted).abs() <= half * (1.0 + 1e-6) {
        Ok(())
    } else {
        Err(format!("it comes to {}", worked * factor))
    }
}

fn value(text: &str) -> Result<f64, String> {
    let mut parser = Parser { letters: text.chars().filter(|c| !c.is_whitespace()).collect(), at: 0 };
    let worked = parser.sum()?;
    match parser.letters.get(parser.at) {
        None => Ok(worked),
        Some(letter) => Err(format!("“{letter}” isn't understood")),
    }
}

struct Parser {
    letters: Vec<char>,
    at: usize,
}

impl Parser {
    fn next_is(&mut self, wanted: &str) -> bool {
        let wanted: Vec<char> = wanted.chars().collect();
        let found = self.letters[self.at..].starts_with(&wanted);
        if found {
            self.at += wanted.len();
        }
        found
    }

    fn sum(&mut self) -> Result<f64, String> {
        let mut sum = self.product()?;
        loop {
            if self.next_is("+") {
                sum += self.product()?;
            } else if self.next_is("−") || self.next_is("-") {
                sum -= self.product()?;
            } else {
                return Ok(sum);
            }
        }
    }

    fn product(&mut self) -> Result<f64, String> {
        let mut product = self.power()?;
        loop {
            if self.next_is("×") {
                product *= self.power()?;
            } else if self.next_is("/") {
                product /= self.power()?;
            } else {
                return Ok(product);
            }
        }
    }

    fn power(&mut self) -> Result<f64, String> {
        let mut base = self.one()?;
        loop {
            if self.next_is("²") {
                base *= base;
            } else if self.next_is("⁴") {
                base = base.powi(4);
            } else if self.next_is("^") {
                base = base.powf(self.one()?);
            } else if self.next_is("%") {
                base /= 100.0;
            } else {
                return Ok(base);
            }
        }
    }

    fn one(&mut self) -> Result<f64, String> {
        if self.next_is("−") || self.next_is("-") {
            return Ok(-self.power()?);
        }
        if self.next_is("√") {
            return Ok(self.one()?.sqrt());
        }
        if self.next_is("ln") {
            return Ok(self.one()?.ln());
        }
        if self.next_is("e^") {
            return Ok(self.one()?.exp());
        }
        if self.next_is("(") {
            let inner = self.sum()?;
            return if self.next_is(")") { Ok(inner) } else { Err("a bracket isn't closed".to_owned()) };
        }
        let rest = self.letters[self.at..].iter();
        let digits: String = rest.take_while(|c| c.is_ascii_digit() || **c == '.').collect();
        self.at += digits.len();
        digits.parse().map_err(|_| format!("a number is missing at {}", self.at))
    }
}
