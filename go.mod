module stilewright

go 1.26.0

require (
	github.com/stretchr/testify v1.12.1
	golang.org/x/image v0.47.0
	golang.org/x/sys v0.50.0
)

require github.com/peterstace/simplefeatures v0.50.0

require codeberg.org/go-pdf/fpdf v0.12.0

require (
	github.com/ajstarks/svgo v0.0.0-20211024235047-1546f124cd8b
	github.com/inconshreveable/mousetrap v1.1.0 // indirect
	github.com/santhosh-tekuri/jsonschema/v6 v6.0.3
	github.com/spf13/cobra v1.10.2
	github.com/spf13/pflag v1.0.9 // indirect
	go.yaml.in/yaml/v3 v3.0.6
	golang.org/x/text v0.43.0 // indirect
)
