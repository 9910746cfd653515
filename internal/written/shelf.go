package written

import "slices"

// shelf keeps many short lists in few places.
type shelf[T any] struct {
	left  []T // what is still empty
	taken int // how much is kept
}

// shelved is for how many there is room at a time.
const shelved = 512

// room returns an empty list that so many can be appended to, until take keeps it.
func (s *shelf[T]) room(n int) []T {
	if len(s.left) < n {
		s.left = make([]T, max(n, shelved))
	}
	return s.left[:0:n]
}

// take keeps the list that room was given to, and returns it; nothing else is appended to it.
func (s *shelf[T]) take(list []T) []T {
	s.left, s.taken = s.left[len(list):], s.taken+len(list)
	return slices.Clip(list)
}

// keep returns a copy of a list, which nothing else is appended to.
func (s *shelf[T]) keep(list []T) []T {
	return s.take(append(s.room(len(list)), list...))
}
