//go:build !race

package golden

const fewer = 1 // see race_test.go
