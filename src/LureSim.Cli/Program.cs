Console.WriteLine("luresim");
