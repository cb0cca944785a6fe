module stilewright

go 1.26.0

require (
	github.com/stretchr/testify v1.12.1
	golang.org/x/image v0.47.0
	golang.org/x/sys v0.50.0
)

require (
	github.com/santhosh-tekuri/jsonschema/v6 v6.0.3 // indirect
	go.yaml.in/yaml/v3 v3.0.6 // indirect
	golang.org/x/text v0.43.0 // indirect
)
