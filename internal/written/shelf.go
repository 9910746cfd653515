package written

// shelf keeps many short lists in few places.
type shelf[T any] struct {
	left []T // what is still empty
}

// shelved is for how many there is room at a time.
const shelved = 256

// keep returns a copy of a list, which nothing else is appended to.
func (s *shelf[T]) keep(list []T) []T {
	if len(s.left) < len(list) {
		s.left = make([]T, max(len(list), shelved))
	}
	kept := s.left[:len(list):len(list)]
	copy(kept, list)
	s.left = s.left[len(list):]
	return kept
}
