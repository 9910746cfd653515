package app

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// A device is named after what its browser says of itself; these are from
// memory.
func TestDeviceNames(t *testing.T) {
	for agent, want := range map[string]string{
		"Mozilla/5.0 (Linux; Android 10; K) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/156.0.0.0 Mobile Safari/537.36":                         "Android phone",
		"Mozilla/5.0 (Linux; Android 10; K) AppleWebKit/537.36 (KHTML, like Gecko) Chrome/156.0.0.0 Safari/537.36":                                "Android tablet",
		"Mozilla/5.0 (iPhone; CPU iPhone OS 18_5 like Mac OS X) AppleWebKit/605.1.15 (KHTML, like Gecko) Version/18.5 Mobile/15E148 Safari/604.1": "iPhone",
		"Mozilla/5.0 (X11; Linux x86_64; rv:140.0) Gecko/20100101 Firefox/140.0":                                                                  "Linux computer",
		"Mozilla/5.0 (Macintosh; Intel Mac OS X 10_15_7) AppleWebKit/605.1.15 (KHTML, like Gecko) Version/18.5 Safari/605.1.15":                   "Mac",
		"Mozilla/5.0 (Windows NT 10.0; Win64; x64; rv:140.0) Gecko/20100101 Firefox/140.0":                                                        "Windows computer",
		"curl/8.5.0": "another device", "": "another device", "<script>": "another device",
	} {
		assert.Equal(t, want, deviceName(agent), agent)
	}
}
