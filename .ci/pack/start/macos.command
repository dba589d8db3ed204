#!/bin/sh
# Starts the program that lies beside this file, and its page in the browser.
cd "$(dirname "$0")" && exec ./fencecard bench
