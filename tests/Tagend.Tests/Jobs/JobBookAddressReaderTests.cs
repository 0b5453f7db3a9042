using Tagend.Addresses;
using Tagend.Problems;
using Xunit;

namespace Tagend.Tests.Jobs;

public class JobBookAddressReaderTests
{
    [Theory]
    [InlineData("tagend-jobs.db")]
    [InlineData("/srv/shop/book file.db")]
    [InlineData("memory")]
    [InlineData("profile:book.db")]
    public void Read_Path_IsAFile(string text) => Assert.Equal(text, JobBookAddressReader.Read(text).Text);

    [Theory]
    [InlineData(":memory:", ":memory:: what is entered there is gone when the run ends; name a file for the job book")]
    [InlineData("file:book.db", "file:book.db: expected the path of the job book's file, without \"file:\" before it")]
    [InlineData("FILE:///book.db?mode=memory", "FILE:///book.db?mode=memory: expected the path of the job book's file, without \"file:\" before it")]
    public void Read_WhatKeepsNothing_IsRefused(string text, string message) =>
        Assert.Equal(message, Assert.Throws<TagendException>(() => JobBookAddressReader.Read(text)).Message);
}
