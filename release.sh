#!/usr/bin/env bash
# What people download, into out/release: ./build.sh release
set -euo pipefail
cd "$(dirname "$0")"
export DOTNET_NOLOGO=1 DOTNET_CLI_TELEMETRY_OPTOUT=1 LC_ALL=C.UTF-8 TAGEND_JOB_BOOK=none TZ=UTC

version=$(sed -nE 's|.*<Version>(.*)</Version>.*|\1|p' Directory.Build.props)
targets=(linux-x64 linux-arm64 win-x64 osx-x64 osx-arm64)
budget=$((40 * 1024 * 1024))
release=out/release
notices=$PWD/out/THIRD-PARTY-NOTICES.txt
bom=$PWD/out/bom.json
committed=$(git log -1 --format=%ct)

# Ahead of time for the machine this runs on; the others cannot be linked here and carry a trimmed runtime.
program() {
    local target=$1 how=()
    [ "$target" = linux-x64 ] || how=(-p:PublishAot=false --self-contained -p:PublishSingleFile=true -p:PublishTrimmed=true -p:PublishReadyToRun=true
        -p:EventSourceSupport=false -p:DebuggerSupport=false) # which ahead of time are left out by themselves
    dotnet publish src/Tagend.Cli -c Release -r "$target" -o "$release/$target" -v quiet "-p:Notices=$notices" "${how[@]}"
    rm -f "$release/$target"/*.dbg
}

archive() {
    local target=$1 name="tagend-$version-$1" system=linux
    case $target in win-*) system=windows ;; osx-*) system=macos ;; esac
    mkdir "$release/$name"
    mv "$release/$target"/* "$release/$name/"
    rmdir "$release/$target"
    cp -r CHANGELOG.md docs demo-orders completions man "$bom" "$release/$name/"
    sed "s/@VERSION@/$version/" downloads/$system.md > "$release/$name/README.md"
    [ $system != windows ] || cp downloads/*.cmd "$release/$name/"
    find "$release/$name" -exec touch -d "@$committed" {} + # else two builds of one commit differ in their dates
    if [ $system = windows ]; then
        (cd $release && find "$name" | sort | zip -q9X "$name.zip" -@)
    else
        tar -C $release --sort=name --owner=0 --group=0 --numeric-owner -cf - "$name" | gzip -9n > "$release/$name.tar.gz"
    fi
    rm -r "${release:?}/$name"
}

# From an empty folder, without the SDK: nothing but the archive and what every Linux has.
smoke_test() {
    local folder
    folder=$(mktemp -d)
    tar -C "$folder" -xzf "$1"
    (
        cd "$folder"/tagend-*
        run() { env -i HOME="$folder" PATH=/usr/bin DOTNET_ROOT=/nowhere "$@"; }
        [ "$(run ./tagend --version)" = "$version" ]
        run ./tagend print demo-orders/demo.csv --out "$folder/out" --preview 90
        run ./tagend recall "$folder/out/tags-02.png"
        readme_commands README.md | while read -r line; do run bash -euc "$line" || { echo "README.md: $line"; exit 1; }; done
        run ./tagend jobs --order 1001 | grep -q string # the book is in the user's own folder, by its default
        [ -e "$folder/.local/share/tagend/tagend-jobs.db" ]
    ) > "$folder/said" 2>&1 || { cat "$folder/said"; echo "$1 does not run"; exit 1; }
    [ -s "$folder/out/cards.pdf" ]
    echo "$(basename "$1"): prints and recalls from an empty folder; each command of its README runs"
    rm -r "$folder"
}

# The lines of a README that start the program, as Linux would have them.
readme_commands() { sed -nE 's/^ {4,}(\.[/\\]tagend .*)/\1/p' "$1" | tr '\\' /; }

# What another system's README names, tried with this system's program; and all that an archive names is in it.
other_readmes() {
    local folder readme
    folder=$(mktemp -d)
    tar -C "$folder" -xzf "$release/tagend-$version-linux-x64.tar.gz"
    for readme in downloads/windows.md downloads/macos.md; do
        (
            cd "$folder"/tagend-*
            readme_commands "$OLDPWD/$readme" | while read -r line; do
                env -i HOME="$(mktemp -d)" PATH=/usr/bin bash -euc "$line" > /dev/null || { echo "$readme: $line"; exit 1; }
            done
            grep -oE '\]\([^)h][^)]*\)' "$OLDPWD/$readme" | tr -d '()]' | while read -r link; do
                [ -e "$link" ] || { echo "$readme: $link is not in the archive"; exit 1; }
            done
        )
    done
    rm -r "$folder"
}

# One small package that names the program, and one a machine; installing takes the one that fits.
tool() {
    dotnet pack src/Tagend.Cli -c Release -o $release -v quiet -p:AsTool=true "-p:Notices=$notices"
    local folder
    folder=$(mktemp -d)
    dotnet tool install Tagend --tool-path "$folder" --add-source "$PWD/$release" --version "$version" > /dev/null
    (cd "$folder" && ./tagend print "$OLDPWD/demo-orders/demo.csv" --out out > said)
    echo "Tagend.$version.nupkg: installs as a tool and prints"
    rm -r "$folder"
}

# The feed may not have the list of known holes: then it says so.
vulnerable() {
    local said
    said=$(dotnet list Tagend.slnx package --vulnerable --include-transitive 2>&1) \
        || { echo "known vulnerabilities: not checked, the feed does not answer that"; return; }
    grep -q "has the following vulnerable packages" <<< "$said" && { echo "$said"; exit 1; }
    echo "known vulnerabilities: $(grep -qi "no vulnerable packages" <<< "$said" && echo none || echo "not checked: $said")"
}

# What the program is built from, as CycloneDX, with nothing of the hour it was made in.
bill_of_materials() {
    dotnet tool restore > /dev/null
    dotnet CycloneDX src/Tagend.Cli/Tagend.Cli.csproj --output-format Json -dpr --no-serial-number \
        --set-name Tagend --set-version "$version" --output out --filename bom.json > /dev/null
    sed -i -E "s/\"timestamp\": \"[^\"]*\"/\"timestamp\": \"$(date -u -d "@$committed" +%Y-%m-%dT%H:%M:%SZ)\"/" "$bom"
    echo "bom.json: $(grep -c '"type": "library"' "$bom") packages"
}

# The archive of this machine once more, from a clone elsewhere: the same bytes, or the files that differ.
same_again() {
    local folder name="tagend-$version-linux-x64.tar.gz"
    folder=$(mktemp -d)
    git clone -q . "$folder/source"
    (cd "$folder/source" && TAGEND_RELEASE_ONLY=linux-x64 ./release.sh) > "$folder/said" 2>&1 || { cat "$folder/said"; exit 1; }
    if cmp -s "$release/$name" "$folder/source/$release/$name"; then
        echo "$name: built again from a clone elsewhere, the same bytes"
    else
        echo "$name: built again from a clone elsewhere, these files differ:"
        mkdir "$folder/one" "$folder/two"
        tar -C "$folder/one" -xzf "$release/$name"
        tar -C "$folder/two" -xzf "$folder/source/$release/$name"
        (cd "$folder" && diff -rq one two) || true
    fi
    rm -rf "$folder"
}

command -v zip > /dev/null || apt-get install -y -qq zip > /dev/null || { echo "needs zip"; exit 1; }
rm -rf $release
mkdir -p $release
dotnet restore src/Tagend.Cli -r linux-x64 -v quiet
./notices.sh > "$notices"
bill_of_materials
if [ -n "${TAGEND_RELEASE_ONLY:-}" ]; then
    targets=("$TAGEND_RELEASE_ONLY")
fi
for target in "${targets[@]}"; do
    program "$target"
    archive "$target"
done
[ -z "${TAGEND_RELEASE_ONLY:-}" ] || exit 0
smoke_test "$release/tagend-$version-linux-x64.tar.gz"
other_readmes
tool
same_again
cp "$bom" "$notices" $release/
(cd $release && sha256sum ./*.tar.gz ./*.zip ./*.nupkg bom.json THIRD-PARTY-NOTICES.txt > SHA256SUMS)
vulnerable
for file in $release/tagend-* $release/*.nupkg; do
    size=$(stat -c %s "$file")
    printf "%-40s %s MB\n" "$(basename "$file")" "$((size / 1048576)).$((size % 1048576 * 10 / 1048576))"
    [ "$size" -le $budget ] || { echo "over the budget of 40 MB"; exit 1; }
done
