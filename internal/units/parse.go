package units

import (
	"errors"
	"math/big"
	"strings"
	"unicode/utf8"
)

// The ways in which a typed length can be wrong. The text of each is the
// end of a message whose beginning names the field.
var (
	ErrEmpty    = errors.New("is empty; write a number such as 18.5")
	ErrNumber   = errors.New("is not a number; write digits such as 18.5, 18,5, 7 1/2 or 7½, without a sign, an exponent or a unit")
	ErrZero     = errors.New("is zero; write a length above 0")
	ErrTooLong  = errors.New("is above 2 m; write a length of at most 200 cm (78.74 in)")
	ErrFraction = errors.New("has a fraction with nothing below the line; write it like 7 1/2")
)

// longestText bounds what is read: no sensible length is written longer.
const longestText = 40

// vulgar are the fractions that stand as one sign, as numerator and
// denominator.
var vulgar = map[rune][2]int64{
	'½': {1, 2}, '¼': {1, 4}, '¾': {3, 4}, '⅓': {1, 3}, '⅔': {2, 3},
	'⅛': {1, 8}, '⅜': {3, 8}, '⅝': {5, 8}, '⅞': {7, 8},
}

// Parse reads a length typed in unit u: digits with "." or "," for decimals,
// a fraction ("7 1/2", "1/2") or a fraction sign ("7½"). It takes no sign,
// exponent or unit name. The result is above 0 and at most Longest, rounded
// half away from zero to the micrometre; the arithmetic is exact until then.
func Parse(text string, u Unit) (Length, error) {
	text = strings.TrimSpace(text)
	if text == "" {
		return 0, ErrEmpty
	}
	if len(text) > longestText {
		return 0, ErrNumber
	}
	value, err := parseRat(text)
	if err != nil {
		return 0, err
	}
	value.Mul(value, big.NewRat(int64(u.Size()), 1))
	if value.Cmp(big.NewRat(int64(Longest), 1)) > 0 {
		return 0, ErrTooLong
	}
	l := roundRat(value)
	if l <= 0 {
		return 0, ErrZero
	}
	return l, nil
}

// parseRat reads whole part, decimals and fraction.
func parseRat(text string) (*big.Rat, error) {
	if last, size := utf8.DecodeLastRuneInString(text); vulgar[last] != [2]int64{} {
		whole, err := parseWhole(strings.TrimSpace(text[:len(text)-size]))
		if err != nil {
			return nil, err
		}
		f := vulgar[last]
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

// parseWhole reads the whole number before a fraction; none is 0.
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

// parseDecimal reads digits with at most one "." or ",", which must have a
// digit on at least one side.
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

// roundRat rounds a number that is not negative half away from zero.
func roundRat(v *big.Rat) Length {
	num := new(big.Int).Lsh(v.Num(), 1)
	num.Add(num, v.Denom())
	num.Quo(num, new(big.Int).Lsh(v.Denom(), 1))
	return Length(num.Int64())
}
