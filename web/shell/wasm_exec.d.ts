// Go's own loader of programs, which the build puts in: it defines Go.
export {};
