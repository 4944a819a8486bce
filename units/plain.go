package units

// plainNumber reads what nearly every length is: 13, 13 3/4, 5/8 or 13.75, in digits of
// ASCII and with single spaces, of at most three digits each. It never says that something
// is wrong: whatever it does not know, faulty or not, is left to the reader of the whole
// grammar. What it reads, it reads as that one does; the tests compare the two.
func plainNumber(s string) (n number, ok bool) {
	whole, rest := plainDigits(s)
	switch {
	case whole < 0:
		return n, false
	case rest == "":
		return number{numerator: whole, denominator: 1}, true
	case rest[0] == '/':
		below, rest := plainDigits(rest[1:])
		return number{numerator: whole, denominator: below}, below > 0 && rest == ""
	case rest[0] == '.':
		part, end := plainDigits(rest[1:])
		if part < 0 || end != "" {
			return n, false
		}
		scale := int64(1)
		for range len(rest) - 1 {
			scale *= 10
		}
		return number{numerator: whole*scale + part, denominator: scale}, true
	case rest[0] != ' ':
		return n, false
	}
	above, rest := plainDigits(rest[1:])
	if above < 0 || rest == "" || rest[0] != '/' {
		return n, false
	}
	below, rest := plainDigits(rest[1:])
	return number{numerator: whole*below + above, denominator: below}, above < below && rest == ""
}

// plainDigits reads one to three digits; -1 where there are none, or more.
func plainDigits(s string) (value int64, rest string) {
	end := 0
	for end < len(s) && '0' <= s[end] && s[end] <= '9' {
		value = value*10 + int64(s[end]-'0')
		if end++; end > 3 {
			return -1, s
		}
	}
	if end == 0 {
		return -1, s
	}
	return value, s[end:]
}
