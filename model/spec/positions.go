package spec

// positions maps a key's path to where its value stands in the file.
type positions map[string]position

type position struct{ line, column int }
