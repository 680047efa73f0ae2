# Worst stack depth: walks the call graph that gcc writes with -fcallgraph-info=su. Functions of the
# compiler's library have no such record; their frame is read from a disassembly (pushes and what is
# taken off sp), which has to be given first. A call through a pointer ends at the driver: 0 bytes.
function title(text) { sub(/^[^"]*"/, "", text); sub(/".*$/, "", text); return text }
FILENAME ~ /\.dis$/ {
    if ($0 ~ /^[0-9a-f]+ <.*>:$/) { f = $2; gsub(/[<>:]/, "", f) }
    else if ($0 ~ /\tpush\t/) {
        list = $0; sub(/^.*\{/, "", list); sub(/\}.*$/, "", list); n = split(list, parts, ",")
        for (i = 1; i <= n; i++) {
            bytes[f] += 4
            if (parts[i] ~ /-/) {
                split(parts[i], ends, "-"); gsub(/[^0-9]/, "", ends[1]); gsub(/[^0-9]/, "", ends[2])
                bytes[f] += 4 * (ends[2] - ends[1])
            }
        }
    } else if ($0 ~ /\tsub\tsp, #/) { n = $0; sub(/^.*#/, "", n); bytes[f] += n + 0 }
    else if ($0 ~ /\tbl\t/) { g = $0; sub(/^.*</, "", g); sub(/>.*$/, "", g); sub(/\+.*/, "", g); call[f, g] = 1; calls[f] = calls[f] " " g }
    next
}
/^node:/ {
    name = $0; sub(/^.*title: "/, "", name); sub(/".*$/, "", name)
    if (match($0, /[0-9]+ bytes/)) {
        own[name] = substr($0, RSTART, RLENGTH) + 0
        if ($0 ~ /dynamic/ && $0 !~ /bounded/) print "dynamic frame: " name > "/dev/stderr"
    }
}
/^edge:/ {
    from = $0; sub(/^.*sourcename: "/, "", from); sub(/".*$/, "", from)
    to = $0; sub(/^.*targetname: "/, "", to); sub(/".*$/, "", to)
    edges[from] = edges[from] " " to
}
function depth(name,    list, n, i, d, best, deep, arr) {
    if (name in memo) return memo[name]
    if (name in open) { print "recursion at " name > "/dev/stderr"; return 0 }
    open[name] = 1
    best = 0; deep = ""
    list = (name in own) ? edges[name] : calls[name]
    n = split(list, arr, " ")
    for (i = 1; i <= n; i++) {
        if (arr[i] == "__indirect_call") continue
        d = depth(arr[i])
        if (d > best) { best = d; deep = arr[i] }
    }
    delete open[name]
    memo[name] = best + ((name in own) ? own[name] : bytes[name])
    nextof[name] = deep
    return memo[name]
}
END {
    n = split(ROOTS, roots, " ")
    for (k = 1; k <= n; k++) {
        printf "stack %s %d bytes:", roots[k], depth(roots[k])
        for (f = roots[k]; f != ""; f = nextof[f]) {
            short = f; sub(/^.*:/, "", short)
            printf " %s(%d)", short, (f in own) ? own[f] : bytes[f]
        }
        print ""
    }
}
