package units

import (
	"errors"
	"math/big"
	"strings"
	"unicode/utf8"
)

// The errors of Parse. Each text continues a message that begins with the name
// of the field.
var (
	ErrEmpty    = errors.New("is empty; write a number such as 18.5")
	ErrNumber   = errors.New("is not a number; write 18.5, 18,5, 7 1/2 or 7½, without a sign or unit")
	ErrZero     = errors.New("is zero; write a length above 0")
	ErrTooLong  = errors.New("is above 2 m; write a length of at most 200 cm (78.74 in)")
	ErrFraction = errors.New("has a fraction with nothing below the line; write it like 7 1/2")
)

// maxText is the most bytes that a typed length may have, far more than any
// sensible one.
const maxText = 40

// fractions are the fractions that Unicode has as one character, as numerator
// and denominator.
var fractions = map[rune][2]int64{
	'½': {1, 2}, '¼': {1, 4}, '¾': {3, 4}, '⅓': {1, 3}, '⅔': {2, 3},
	'⅛': {1, 8}, '⅜': {3, 8}, '⅝': {5, 8}, '⅞': {7, 8},
}

// Parse reads a length typed in unit u: digits with "." or "," for decimals,
// a fraction ("7 1/2", "1/2") or a fraction character ("7½"). It accepts no
// sign, exponent or unit name. The result is above 0 and at most MaxLength,
// rounded half away from zero to the micrometre; the arithmetic is exact until
// then.
func Parse(text string, u Unit) (Length, error) {
	text = strings.TrimSpace(text)
	if text == "" {
		return 0, ErrEmpty
	}
	if len(text) > maxText {
		return 0, ErrNumber
	}
	if n, scale, ok := short(text); ok {
		return bounded(n*int64(u.Size()), scale)
	}
	return parseExact(text, u)
}

// short reads at most nine digits, with at most one "." or ",", as a whole number
// and the power of ten that it is divided by. That is how nearly every length is
// typed, and a plan that is made again for each round reads all of them again.
func short(text string) (n, scale int64, ok bool) {
	if len(text) > 10 {
		return 0, 0, false
	}
	digits := 0
	for _, c := range []byte(text) {
		switch {
		case c >= '0' && c <= '9':
			n, scale, digits = n*10+int64(c-'0'), scale*10, digits+1
		case (c == '.' || c == ',') && scale == 0:
			scale = 1
		default:
			return 0, 0, false
		}
	}
	return n, max(scale, 1), digits > 0 && digits < 10
}

// bounded is n/scale micrometres as a length, rounded.
func bounded(n, scale int64) (Length, error) {
	if n > int64(MaxLength)*scale {
		return 0, ErrTooLong
	}
	l := Length((2*n + scale) / (2 * scale))
	if l == 0 {
		return 0, ErrZero
	}
	return l, nil
}

// parseExact reads any text that Parse takes.
func parseExact(text string, u Unit) (Length, error) {
	value, err := parseRat(text)
	if err != nil {
		return 0, err
	}
	value.Mul(value, big.NewRat(int64(u.Size()), 1))
	if value.Cmp(big.NewRat(int64(MaxLength), 1)) > 0 {
		return 0, ErrTooLong
	}
	l := roundRat(value)
	if l <= 0 {
		return 0, ErrZero
	}
	return l, nil
}

// parseRat reads a decimal number, or a whole number and a fraction.
func parseRat(text string) (*big.Rat, error) {
	if last, size := utf8.DecodeLastRuneInString(text); fractions[last] != [2]int64{} {
		whole, err := parseWhole(strings.TrimSpace(text[:len(text)-size]))
		if err != nil {
			return nil, err
		}
		f := fractions[last]
		return whole.Add(whole, big.NewRat(f[0], f[1])), nil
	}
	over, under, isFraction := strings.Cut(text, "/")
	if !isFraction {
		return parseDecimal(text)
	}
	whole := new(big.Rat)
	top := strings.TrimSpace(over)
	if i := strings.LastIndexAny(top, " \u00a0"); i >= 0 {
		var err error
		if whole, err = parseWhole(strings.TrimSpace(top[:i])); err != nil {
			return nil, err
		}
		top = strings.TrimSpace(top[i:])
	}
	n, err := parseDigits(top)
	if err != nil {
		return nil, err
	}
	d, err := parseDigits(strings.TrimSpace(under))
	if err != nil {
		return nil, err
	}
	if d.Sign() == 0 {
		return nil, ErrFraction
	}
	return whole.Add(whole, new(big.Rat).SetFrac(n, d)), nil
}

// parseWhole reads the whole number before a fraction, 0 for an empty text.
func parseWhole(text string) (*big.Rat, error) {
	if text == "" {
		return new(big.Rat), nil
	}
	n, err := parseDigits(text)
	if err != nil {
		return nil, err
	}
	return new(big.Rat).SetInt(n), nil
}

// parseDecimal reads digits with at most one "." or ",", and at least one
// digit.
func parseDecimal(text string) (*big.Rat, error) {
	whole, part := text, ""
	if i := strings.IndexAny(text, ".,"); i >= 0 {
		whole, part = text[:i], text[i+1:]
	}
	n, err := parseDigits(whole + part)
	if err != nil {
		return nil, err
	}
	scale := new(big.Int).Exp(big.NewInt(10), big.NewInt(int64(len(part))), nil)
	return new(big.Rat).SetFrac(n, scale), nil
}

func parseDigits(text string) (*big.Int, error) {
	if text == "" {
		return nil, ErrNumber
	}
	for _, c := range []byte(text) {
		if c < '0' || c > '9' {
			return nil, ErrNumber
		}
	}
	n, _ := new(big.Int).SetString(text, 10)
	return n, nil
}

// roundRat rounds half up. v is not negative.
func roundRat(v *big.Rat) Length {
	num := new(big.Int).Lsh(v.Num(), 1)
	num.Add(num, v.Denom())
	num.Quo(num, new(big.Int).Lsh(v.Denom(), 1))
	return Length(num.Int64())
}
