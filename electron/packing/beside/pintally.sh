#!/bin/sh
# Finds its folder by the shell alone: it starts where no other program is found.
start=$0
if [ -L "$start" ]; then start=$(readlink -f "$start"); fi
case $start in */*) here=${start%/*} ;; *) here=. ;; esac
exec "$here/node/node" "$here/app/out/main/packed-start.js"
