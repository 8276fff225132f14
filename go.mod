module example.org/barrow

go 1.26

require (
	github.com/google/go-cmp v0.7.0
	github.com/hashicorp/go-multierror v1.1.1
	github.com/spf13/cobra v1.10.2
	github.com/spf13/pflag v1.0.9
	pgregory.net/rapid v1.3.0
)

require (
	github.com/hashicorp/errwrap v1.0.0 // indirect
	github.com/inconshreveable/mousetrap v1.1.0 // indirect
)
