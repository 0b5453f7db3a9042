#!/usr/bin/env bash
# What people download, into out/release: ./build.sh release
set -euo pipefail
cd "$(dirname "$0")"
export DOTNET_NOLOGO=1 DOTNET_CLI_TELEMETRY_OPTOUT=1 LC_ALL=C.UTF-8 TAGEND_JOB_BOOK=none

version=$(sed -nE 's|.*<Version>(.*)</Version>.*|\1|p' Directory.Build.props)
targets=(linux-x64 linux-arm64 win-x64 osx-arm64)
budget=$((30 * 1024 * 1024))
release=out/release
notices=$PWD/out/THIRD-PARTY-NOTICES.txt

# Ahead of time for the machine this runs on; the others cannot be linked here and carry a trimmed runtime.
program() {
    local target=$1 how=()
    [ "$target" = linux-x64 ] || how=(-p:PublishAot=false --self-contained -p:PublishSingleFile=true -p:PublishTrimmed=true -p:PublishReadyToRun=true)
    dotnet publish src/Tagend.Cli -c Release -r "$target" -o "$release/$target" -v quiet "-p:Notices=$notices" "${how[@]}"
    rm -f "$release/$target"/*.dbg
}

archive() {
    local target=$1 name="tagend-$version-$1"
    mkdir "$release/$name"
    mv "$release/$target"/* "$release/$name/"
    rmdir "$release/$target"
    cp -r README.md CHANGELOG.md docs demo-orders completions man "$release/$name/"
    if [[ $target == win-* ]]; then
        (cd $release && zip -qr9X "$name.zip" "$name")
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
        run() { env -i HOME="$folder" TAGEND_JOB_BOOK=none PATH=/usr/bin DOTNET_ROOT=/nowhere ./tagend "$@"; }
        [ "$(run --version)" = "$version" ]
        run init "$folder/shop"
        run print demo-orders/demo.csv --out "$folder/out" --preview 90 --templates "$folder/shop"
        run recall "$folder/out/tags-02.png"
    ) > "$folder/said" 2>&1 || { cat "$folder/said"; echo "$1 does not run"; exit 1; }
    [ -s "$folder/out/cards.pdf" ]
    echo "$(basename "$1"): prints and recalls from an empty folder"
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

command -v zip > /dev/null || apt-get install -y -qq zip > /dev/null || { echo "needs zip"; exit 1; }
rm -rf $release
mkdir -p $release
dotnet restore src/Tagend.Cli -r linux-x64 -v quiet
./notices.sh > "$notices"
for target in "${targets[@]}"; do
    program "$target"
    archive "$target"
done
smoke_test "$release/tagend-$version-linux-x64.tar.gz"
tool
(cd $release && sha256sum ./*.tar.gz ./*.zip ./*.nupkg > SHA256SUMS)
vulnerable
for file in $release/tagend-* $release/*.nupkg; do
    size=$(stat -c %s "$file")
    printf "%-40s %s MB\n" "$(basename "$file")" "$((size / 1048576)).$((size % 1048576 * 10 / 1048576))"
    [ "$size" -le $budget ] || { echo "over the budget of 30 MB"; exit 1; }
done
